"""A department's bank of items: a folder of TOML files, loaded, proved, signed and merged."""
