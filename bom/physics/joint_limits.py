"""Published limits of joint resistance, as data.

Each row is a wire, the current it is tested at, and the greatest drop allowed then.

- Terminal block (two clamping points and the bar between): 3.2 mV at a tenth of the current of the rated
  wire, IEC 60947-7-1:2009 8.4.4 and Table 5. Limit and most currents read second-hand on a public page;
  the same page calls 60 % below the limit usual for good blocks, hence the least share 0.4. 25, 70, 120,
  185 and 240 mm2 from memory.
- Plug contact (pin, socket and both crimps): contact resistance table of MIL-DTL-5015 and, for the two
  smallest, of SAE AS39029, from memory. Areas are those of the wire gauge that the contact is made for
  (22, 20, 16, 12, 8, 4 and 1/0). The test amps are those of the same wires in a bundle, MIL-W-5088.
  No least is published: counted as 0.
- Blade fuse: cold resistance times rating is 0.059 V (30 A) to 0.089 V (5 A), and 0.085 to 0.13 V at full
  load: makers' sheets, from memory; 7.7 mohm at 10 A read second-hand on a public page. 0.15 V stands as
  the highest, common practice. ISO 8820-3 has limits of its own, which were not seen.
- Frame bond: at most 3 mohm, FAA AC 43.13-1B Chg 1 paragraph 11-187 (bonding jumpers), from memory. No
  least is published: counted as 0.
- Crimps: no volts table was seen at first hand. FAA AC 43.13-1B paragraph 11-178 asks for a resistance that
  is negligible beside the wire's, from memory, so a crimp adds nothing here.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True)
class LimitRow:
    """One wire, mm2; test amps; greatest drop, V."""

    area_mm2: float
    test_a: float
    drop_v: float


@dataclass(frozen=True)
class JointLimit:
    """Rows by rising wire, and the least resistance of a sound joint as a share of the greatest."""

    rows: tuple[LimitRow, ...]
    least_share: float


_BLOCK_DROP_V = 3.2e-3
_BLOCK_TEST_SHARE = 0.1
# fmt: off
_BLOCK_A = {
    0.2: 4.0, 0.5: 6.0, 0.75: 9.0, 1.0: 13.5, 1.5: 17.5, 2.5: 24.0, 4.0: 32.0, 6.0: 41.0, 10.0: 57.0,
    16.0: 76.0, 25.0: 101.0, 35.0: 125.0, 50.0: 150.0, 70.0: 192.0, 95.0: 232.0, 120.0: 269.0, 150.0: 309.0,
    185.0: 353.0, 240.0: 415.0,
}
# fmt: on

JOINT_LIMITS: Mapping[str, JointLimit] = MappingProxyType(
    {
        "terminal block": JointLimit(
            rows=tuple(LimitRow(area, _BLOCK_TEST_SHARE * amps, _BLOCK_DROP_V) for area, amps in _BLOCK_A.items()),
            least_share=0.4,
        ),
        "plug contact": JointLimit(
            rows=(
                LimitRow(0.33, 5.0, 0.073),
                LimitRow(0.52, 7.5, 0.055),
                LimitRow(1.31, 13.0, 0.049),
                LimitRow(3.31, 23.0, 0.042),
                LimitRow(8.37, 46.0, 0.026),
                LimitRow(21.1, 80.0, 0.023),
                LimitRow(53.5, 150.0, 0.021),
            ),
            least_share=0.0,
        ),
    }
)

BLADE_FUSE_DROP_V = (0.059, 0.15)
FRAME_BOND_OHM = (0.0, 0.003)
