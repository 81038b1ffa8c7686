"""What can be measured of an item: how hard it is, how close to another, which year it suits."""
