"""Volumes and counts, in place."""
