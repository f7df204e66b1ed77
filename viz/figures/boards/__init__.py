"""Foam boards and strips of sheet on the plan as they are laid, numbered, and cut."""
