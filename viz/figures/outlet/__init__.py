"""The outlet to daylight: the solid pipe under the falling ground, heights enlarged."""
