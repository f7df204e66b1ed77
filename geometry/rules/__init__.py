"""Rules on how high a drain may lie, as data."""
