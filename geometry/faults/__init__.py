"""What is wrong with a design, all of it at once, each fault in one sentence."""
