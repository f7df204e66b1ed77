"""The plan in the design file's text: read as far as it can be, edits that keep comments."""
