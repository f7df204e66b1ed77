"""Designs side by side: what differs between them in words, tables, pictures and files."""
