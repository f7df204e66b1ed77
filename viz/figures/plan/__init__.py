"""The foundation plan: walls, footings, piers, drain and pit from above, with their words."""
