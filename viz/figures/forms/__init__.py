"""Papers to fill in with a pencil: rows with boxes to tick and room to write."""
