"""IFC4 (ISO 16739-1): the house as building elements, with levels, materials and quantities."""
