/**
 * May this athlete add speed, and what do their tests say? Holds the ladder of approach steps with its gate, the tests
 * with the protocol they were done by, and the statistics that both stand on: shares of clean reps, the sequential test,
 * the error of a test, legs compared with their own history, and the trend of a squad. It answers in words with the
 * evidence; it never prints a chance of injury and never diagnoses.
 */
@NullMarked
package boundwright.readiness;

import org.jspecify.annotations.NullMarked;

