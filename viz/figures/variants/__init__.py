"""The same detail of several designs, side by side at one scale."""
