"""Lines of the plan: dashes in millimetres on paper, in the spirit of ISO 128."""

HIDDEN = (2.4, 1.2)
FABRIC = (1.2, 0.9)
THIN_CHAIN = (7.0, 1.2, 0.5, 1.2)
PIPE_CHAIN = (5.5, 1.3, 0.7, 1.3)
BLEEDER = (1.6, 0.7)
DIG = (4.5, 1.2, 0.5, 1.2, 0.5, 1.2)

PIPE = 0.70
SOLID_PIPE = 0.50
THICK_END = 0.70
THIN = 0.18
HIDDEN_WEIGHT = 0.25
FABRIC_WEIGHT = 0.18
