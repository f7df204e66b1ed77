"""What tables say on screen and in files: levels, volumes, water, order and the rest."""
