"""Text heights in millimetres on paper: the height of a capital letter, as in ISO 3098."""

SMALLEST = 2.5
HEAD = 3.5
TITLE = 5.0

# Distance between baselines, in text heights.
PITCH = 1.75
# Depth of a descender below the baseline, in text heights.
DESCENT = 0.33


def body_height(paper_width_mm: float) -> float:
    """Return the height of labels and notes: larger sheets are read from farther away."""
    return 3.0 if paper_width_mm > 550 else SMALLEST
