"""Every height of the drain at once, and the rules that ask for them."""
