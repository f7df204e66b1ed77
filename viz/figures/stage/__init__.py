"""One stage of the build as a picture: what is there, what is laid now, what comes later."""
