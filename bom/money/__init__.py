"""Offers, quantities, packs and orders."""
