"""Which record holds the facts of which criterion?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from generator.analyses.verdict.criteria.after_one_fault import AfterOneFault
from generator.analyses.verdict.criteria.against_wind import AgainstWind
from generator.analyses.verdict.criteria.battery_currents import BatteryCurrents
from generator.analyses.verdict.criteria.boat_value import BoatValue
from generator.analyses.verdict.criteria.calm_speed import CalmSpeed
from generator.analyses.verdict.criteria.charge_ceiling import ChargeCeiling
from generator.analyses.verdict.criteria.cold import Cold
from generator.analyses.verdict.criteria.compartment import Space
from generator.analyses.verdict.criteria.continuous_power import HeldCruise
from generator.analyses.verdict.criteria.conversion import Conversion
from generator.analyses.verdict.criteria.design_area import DesignArea
from generator.analyses.verdict.criteria.evidence import Evidence
from generator.analyses.verdict.criteria.foul_gate import FoulGate
from generator.analyses.verdict.criteria.healthy_engine import PresentEngine
from generator.analyses.verdict.criteria.house_supply import HouseSupply
from generator.analyses.verdict.criteria.insurer import Insurer
from generator.analyses.verdict.criteria.legs_covered import LegsCovered
from generator.analyses.verdict.criteria.mass_change import MassChange
from generator.analyses.verdict.criteria.mooring import Mooring
from generator.analyses.verdict.criteria.must_make_leg import MustMakeLeg
from generator.analyses.verdict.criteria.payback import Payback
from generator.analyses.verdict.criteria.power_per_tonne import PowerPerTonne
from generator.analyses.verdict.criteria.propeller_match import PropellerMatch
from generator.analyses.verdict.criteria.recharge import Recharge
from generator.analyses.verdict.criteria.reserve_kept import ReserveKept
from generator.analyses.verdict.criteria.stopping import Stopping
from generator.analyses.verdict.criteria.trim_and_list import TrimAndList

FACTS: Mapping[int, Any] = {  # by the number of the criterion
    1: MustMakeLeg, 2: LegsCovered, 3: ReserveKept, 4: AgainstWind, 5: HeldCruise, 6: AgainstWind,
    7: CalmSpeed, 8: PowerPerTonne, 9: FoulGate, 10: AfterOneFault, 11: Recharge, 12: Mooring,
    13: HouseSupply, 14: BatteryCurrents, 15: Cold, 16: MassChange, 17: TrimAndList,
    18: DesignArea, 19: Space, 20: Insurer, 21: Conversion, 22: ChargeCeiling, 23: PropellerMatch,
    24: Stopping, 25: Payback, 26: BoatValue, 27: PresentEngine, 28: Evidence,
}  # fmt: skip
