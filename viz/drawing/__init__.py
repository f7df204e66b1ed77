"""Marks, pages, scales, label placing."""
