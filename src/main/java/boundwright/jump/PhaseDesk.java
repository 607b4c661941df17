package boundwright.jump;

import boundwright.athlete.Athlete;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.random.RandomGenerator;

/** Reads an athlete's measured jumps: shares, contact line drawn towards the squad's, best shares, where the metres are. */
public final class PhaseDesk {
  /** The same jumps give the same answer on every machine. */
  private static final long SEED = 20_260_901L;

  private final JumpLog log;

  /** Works on these jumps. */
  public PhaseDesk(JumpLog log) {
    this.log = log;
  }

  /** What the kept jumps say; never refuses for too few, but says so. */
  public PhaseAnswer answer(Athlete athlete) {
    double threshold = log.settings().classThreshold();
    List<JumpEntry> jumps = log.jumps(athlete.id());
    List<MeasuredJump> speeds = speeds(jumps);
    ContactPrior prior = prior(athlete.id());
    ContactLine line = ContactLine.learn(contacts(speeds), prior);
    try {
      JumpProfile profile = JumpProfile.of(speeds);
      RandomGenerator random = generator();
      BestShares best = BestShares.of(line, profile, Math.max(profile.shortestStep_m(), 0), threshold, random);
      return new PhaseAnswer(jumps, threshold, line, prior.athletes(), best, WhereMetres.of(line, profile, random), null);
    } catch (RefusedException tooFew) {
      return new PhaseAnswer(jumps, threshold, line, prior.athletes(), null, List.of(), Objects.requireNonNull(tooFew.getMessage()));
    }
  }

  /** The squad without this athlete, or their contacts would count twice. */
  private ContactPrior prior(long athlete) {
    List<List<MeasuredContact>> others = new ArrayList<>();
    for (Map.Entry<Long, List<JumpEntry>> e : log.jumpsWithSpeeds().entrySet()) {
      if (e.getKey() != athlete) {
        others.add(contacts(speeds(e.getValue())));
      }
    }
    return ContactPrior.ofSquad(others);
  }

  private static List<MeasuredJump> speeds(List<JumpEntry> jumps) {
    List<MeasuredJump> out = new ArrayList<>();
    for (JumpEntry j : jumps) {
      MeasuredJump m = j.speeds();
      if (m != null) {
        out.add(m);
      }
    }
    return out;
  }

  private static List<MeasuredContact> contacts(List<MeasuredJump> jumps) {
    return jumps.stream().flatMap(j -> j.contacts().stream()).toList();
  }

  private static RandomGenerator generator() {
    return new Random(SEED);
  }
}
