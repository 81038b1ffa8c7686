"""What is known of the keys of a bank: proofs and sign-offs."""
