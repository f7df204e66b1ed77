"""Rules on drain, footing, wall, floor and ground, as data, each with its source."""
