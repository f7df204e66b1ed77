"""What keeps the floor warm: resistance of its layers, and its loss to the ground."""
