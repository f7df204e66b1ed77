"""General notes written from the design, and sentences as figures."""
