"""The parts of the job as frozen records, as the design file says them."""
