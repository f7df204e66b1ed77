"""This job against formulas and rules: findings."""
