"""The command line: words in, call, table out."""
