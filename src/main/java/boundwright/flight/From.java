package boundwright.flight;

import boundwright.athlete.Profile;
import boundwright.flight.RepStore.Learned;
import java.time.LocalDate;
import java.util.List;

/**
 * All that a model rests on.
 *
 * @param profile the athlete with their tests
 * @param squad what the squad tells
 * @param reps all of them, by date and then number
 */
record From(Profile profile, SquadPrior squad, List<Rep> reps) {
  /** Learns all of them. */
  Learned learned() {
    FlightModel prior = FlightModel.prior(profile, squad);
    return learnOn(prior, prior, reps);
  }

  /** Goes on learning. */
  static Learned learnOn(FlightModel from, FlightModel dayStartBefore, List<Rep> ordered) {
    FlightModel model = from;
    FlightModel dayStart = dayStartBefore;
    for (Rep r : ordered) {
      LocalDate last = model.lastDate();
      if (!r.date().equals(last)) {
        dayStart = model;
      }
      model = model.learn(r);
    }
    return new Learned(model, dayStart);
  }
}
