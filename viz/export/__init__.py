"""Writers of marks and bodies: SVG, PNG, GLB."""
