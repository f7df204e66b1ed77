"""Drawings of the job: marks on paper."""
