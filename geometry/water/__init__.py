"""Water at the drain: its heights against the rules, and what follows from the layout."""
