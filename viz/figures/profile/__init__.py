"""The drain's profile: unrolled along the pipe, heights enlarged."""
