"""The story pole at full size: strips that tape together, and what stands beside them."""
