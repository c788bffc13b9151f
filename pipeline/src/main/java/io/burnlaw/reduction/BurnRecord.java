package io.burnlaw.reduction;

import io.burnlaw.campaign.Firing;
import io.burnlaw.campaign.Formulation;
import io.burnlaw.campaign.Hardware;
import io.burnlaw.grain.Grain;
import io.burnlaw.trace.Trace;
import java.util.List;
import java.util.OptionalDouble;

/**
 * All that is known about a burn when it is looked over for what went wrong or was out of the ordinary.
 *
 * @param firing                 row of the log
 * @param formulation            its propellant
 * @param hardware               what the case can stand
 * @param grain                  its grain
 * @param trace                  conditioned record
 * @param noise                  standard deviation of a sample [Pa]
 * @param events                 when things happened
 * @param dwellStart             begin of a dwell at low pressure before the main rise [s]
 * @param highest                highest smoothed pressure over ambient [Pa]
 * @param characteristicVelocity that closes the mass [m/s]
 * @param massKnown              whether the mass was weighed; else it is density times volume
 * @param along                  rate along the burn, where it could be had
 * @param webSpread              standard deviation of the web over the surface, as the tail-off shows it [m]
 */
record BurnRecord(
        Firing firing,
        Formulation formulation,
        Hardware hardware,
        Grain grain,
        Trace trace,
        double noise,
        Events events,
        OptionalDouble dwellStart,
        double highest,
        double characteristicVelocity,
        boolean massKnown,
        List<InstantaneousRate> along,
        double webSpread) {}
