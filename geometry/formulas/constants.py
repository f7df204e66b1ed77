"""The few constants of water."""

GRAVITY = 9.80665
"""Standard acceleration of gravity, m/s2 (NIST SP 811, table B.8)."""

WATER_DENSITY = 1000.0
"""Fresh water, kg/m3, rounded; 62.4 lb/ft3 in American practice is 999.6."""

WATER_VISCOSITY = 1.307e-6
"""Kinematic viscosity of water at 10 C, m2/s (textbook tables, from memory)."""
