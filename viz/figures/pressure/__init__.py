"""What the fill pushes on the wall, drained and flooded, beside the wall's outline."""
