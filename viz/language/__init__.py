"""Languages: a file of words each, and the reader of such files."""
