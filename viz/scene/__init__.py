"""Three-dimensional pictures: actors, cameras, cut, explode."""
