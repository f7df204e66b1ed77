"""The drain pipe in detail."""
