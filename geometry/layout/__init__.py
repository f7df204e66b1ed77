"""Where every part lies: regions on the plan between levels, before any mesh is made."""
