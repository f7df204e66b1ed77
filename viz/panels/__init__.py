"""The panels of the app: widgets in, call, picture or table out."""
