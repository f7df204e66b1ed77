"""What one can buy or dig: rows with their sources."""
