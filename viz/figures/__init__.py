"""Drawings to scale before they have a place on a sheet: sections, plan, profile, tables."""
