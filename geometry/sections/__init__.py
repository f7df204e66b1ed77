"""A cut plane through the job: labelled faces and levels."""
