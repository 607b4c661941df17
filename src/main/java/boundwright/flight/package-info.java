/**
 * How long this athlete's flights are. Holds the mechanics of a flight and a contact, the run-up's speed and length,
 * the reps that were logged, and the Bayesian model that learns each flight's length from them and forecasts where
 * every contact of a sequence will fall. Nothing here knows marks, sand or screens.
 */
@NullMarked
package boundwright.flight;

import org.jspecify.annotations.NullMarked;

