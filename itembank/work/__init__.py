"""What a person can do with the tool, without a screen: plain values in, plain values out."""
