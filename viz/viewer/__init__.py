"""The model to turn: one page that needs no network, and the script that draws it."""
