"""The pit over the storm, drawn: rain, water with the pump and without, levels that matter."""
