"""Number: factors, multiples and what whole numbers are made of."""
