"""Many designs at once: which, each one's line, what is finished, workers, the table."""
