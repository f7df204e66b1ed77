"""Line weights and dashes in millimetres on paper, after the ISO 128 series of widths."""

GROUND = 0.70
BORDER = 0.70
CUT = 0.50
DATUM = 0.50
SEEN = 0.25
LEADER = 0.18
DIMENSION = 0.18
HATCH = 0.13
THIN = 0.18
DOT = 0.25

INK = "#1a1a1a"
PAPER = "#ffffff"
QUIET = "#6b6b6b"

# Long dash, gap, dot, gap: the chain line of a datum.
CHAIN = (9.0, 1.8, 0.6, 1.8)

# A part thinner than this on paper cannot be outlined on both sides; it becomes one heavy line.
THINNEST_OUTLINED = 0.80
