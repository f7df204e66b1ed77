"""The dug floor as a map: how thick the base comes out, high and low spots, where water stands."""
