package boundwright.jump;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import boundwright.flight.ContactModel;
import boundwright.flight.FlightChain.Push;
import boundwright.flight.FlightChain;
import boundwright.jump.BestShares.Option;
import boundwright.jump.JumpProfile.ShownPhase;
import boundwright.jump.JumpProfile.Ups;
import boundwright.jump.JumpProfile.Usual;
import boundwright.quantity.Estimate;
import boundwright.quantity.RefusedException;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The best shares and where the metres are, against the chain of section 2 and laws of the search. */
class MeetSharesTest {
  private static final ContactModel TRUTH = new ContactModel.ByGain(-1.2, 0.6);

  /** A profile whose body is the worked chain's, with every mixture of a range of vertical speeds shown around it. */
  private static JumpProfile workedProfile(double half) {
    double[] vy = {2.4, 1.9, 2.2};
    double[] to = {1.25, 1.2, 1.2};
    double[] td = {1.05, 1.05, .65};
    double[] ground = {.75, .75, 1.0};
    List<ShownPhase> phases = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      phases.add(
          new ShownPhase(
              new Usual(vy[i], .02), vy[i] - half, vy[i] + half, new Usual(to[i], .01), new Usual(td[i], .01), new Usual(ground[i], .02)));
    }
    List<Ups> corners = new ArrayList<>();
    for (int c = 0; c < 8; c++) {
      corners.add(new Ups(vy[0] + (c % 2 == 0 ? -half : half), vy[1] + (c / 2 % 2 == 0 ? -half : half), vy[2] + (c < 4 ? -half : half)));
    }
    return new JumpProfile(new Usual(10.2, .03), -.3, phases, 4.0, 12, corners);
  }

  private static ContactLine line(int jumps, double noise, long seed) {
    return ContactLine.learn(
        JumpFixtures.contacts(JumpFixtures.jumps(TRUTH, jumps, new Random(seed), noise)), ContactPrior.JUDGED, ContactForm.BY_GAIN);
  }

  /** Section 2 (worked): the chain's total is 15.5822 m, here from the search's linear terms with A0 -1.2, A1 0.6. */
  @Test
  void termsGiveTheChainOfSectionTwo() {
    ShareGrid grid = new ShareGrid(ContactForm.BY_GAIN, workedProfile(.3), 7);
    int middle = grid.nearest(new double[] {2.4, 1.9, 2.2});
    double[] t = new double[3];
    grid.terms(middle, t);
    assertThat(t[0] + 1.2 * t[1] - .6 * t[2]).isCloseTo(15.5822, within(5.1e-5));
    double[] l = new double[3];
    assertThat(grid.lengths(middle, -1.2, .6, 0, l)).isTrue();
    assertThat(l[0]).isCloseTo(5.4951 + .75, within(5.1e-5));
    assertThat(l[1]).isCloseTo(3.6247 + .75, within(5.1e-5));
    assertThat(l[2]).isCloseTo(3.9625 + 1.0, within(5.1e-5));
  }

  /** Terms and lengths agree with the chain everywhere, in both forms. */
  @Test
  void termsAgreeWithTheChainEverywhere() {
    for (ContactForm form : ContactForm.values()) {
      ShareGrid grid = new ShareGrid(form, workedProfile(.4), 5);
      double a0 = form == ContactForm.BY_GAIN ? -1.0 : -.3;
      double a1 = .55;
      double[] t = new double[3];
      for (int p = 0; p < grid.points(); p += 7) {
        double[] up = grid.up(p);
        double total =
            FlightChain.run(form.line(a0, a1), 10.2, -.3,
                    List.of(new Push(up[0], 1.25, 1.05, .75), new Push(up[1], 1.2, 1.05, .75), new Push(up[2], 1.2, .65, 1)))
                .stream().mapToDouble(FlightChain.Link::length).sum();
        grid.terms(p, t);
        assertThat(t[0] - a0 * t[1] - a1 * t[2]).isCloseTo(total, within(1e-9));
      }
    }
  }

  /** The best is no shorter than the chain anywhere in the range, tried at random with the chain itself. */
  @Test
  void nothingInTheRangeBeatsTheBest() {
    ContactLine line = line(40, .1, 1);
    BestShares s = BestShares.of(line, workedProfile(.3), 3.9, 2, new Random(1));
    Random random = new Random(77);
    for (int i = 0; i < 20_000; i++) {
      double[] up = {2.1 + .6 * random.nextDouble(), 1.6 + .6 * random.nextDouble(), 1.9 + .6 * random.nextDouble()};
      List<FlightChain.Link> links =
          FlightChain.run(line.middle(), 10.2, -.3,
              List.of(new Push(up[0], 1.25, 1.05, .75), new Push(up[1], 1.2, 1.05, .75), new Push(up[2], 1.2, .65, 1)));
      double total = links.stream().mapToDouble(FlightChain.Link::length).sum();
      if (links.get(1).length() >= 3.9) {
        assertThat(total).as("seed 77, " + up[0] + " " + up[1] + " " + up[2]).isLessThanOrEqualTo(s.best().total_m() + .01);
      }
    }
  }

  /** Plateau: holds the best, all of it within 5 cm, its outline encloses every cell of it; the rest is shorter. */
  @Test
  void plateauIsWithinFiveCentimetres() {
    BestShares s = BestShares.of(line(40, .1, 1), workedProfile(.3), 3.9, 2, new Random(1));
    assertThat(s.plateau()).isNotEmpty().allSatisfy(o -> assertThat(o.total_m()).isGreaterThanOrEqualTo(s.best().total_m() - .05));
    assertThat(s.plateau()).extracting(Option::point).contains(s.best().point());
    assertThat(s.reachable()).hasSizeGreaterThan(s.plateau().size());
    List<Shares> outline = s.plateauOutline();
    for (Option o : s.plateau()) {
      for (int i = 0; i < outline.size(); i++) {
        Shares a = outline.get(i);
        Shares b = outline.get((i + 1) % outline.size());
        double side =
            (b.hop() - a.hop()) * (o.shares().step() - a.step()) - (b.step() - a.step()) * (o.shares().hop() - a.hop());
        assertThat(side).isGreaterThanOrEqualTo(-1e-12);
      }
    }
  }

  /** Section 2 (worked): a free search over vy runs to its bounds; the answer says so, and the floor holds the step up. */
  @Test
  void saysWhenTheOptimumSitsOnABound() {
    ContactLine flat = ContactLine.learn(
        JumpFixtures.contacts(JumpFixtures.jumps(new ContactModel.ByGain(.2, .15), 40, new Random(2), .05)), ContactPrior.JUDGED, ContactForm.BY_GAIN);
    BestShares s = BestShares.of(flat, workedProfile(.2), 0, 2, new Random(1));
    assertThat(s.bounds()).extracting(BestShares.Bound::upper).contains(true);
    assertThat(s.words()).contains("edge of what was shown");
    ContactLine steep = ContactLine.learn(
        JumpFixtures.contacts(JumpFixtures.jumps(new ContactModel.ByGain(-2.8, 1.0), 40, new Random(2), .05)), ContactPrior.JUDGED, ContactForm.BY_GAIN);
    BestShares free = BestShares.of(steep, workedProfile(.4), 0, 2, new Random(1));
    double step = free.best().shares().step() * free.best().total_m();
    BestShares held = BestShares.of(steep, workedProfile(.4), step + .1, 2, new Random(1));
    assertThat(held.best().shares().step() * held.best().total_m()).isGreaterThanOrEqualTo(step + .1 - 1e-6);
    assertThat(held.best().total_m()).isLessThanOrEqualTo(free.best().total_m());
    assertThatThrownBy(() -> BestShares.of(steep, workedProfile(.4), 7.9, 2, new Random(1)))
        .isInstanceOf(RefusedException.class).hasMessageContaining("7.9 m");
  }

  /** Closed-form chance against drawn lines, to three standard errors (seeded). */
  @Test
  void chanceLongerAgreesWithDraws() {
    ContactLine line = line(8, .2, 4);
    JumpProfile profile = workedProfile(.3);
    BestShares s = BestShares.of(line, profile, 3.9, 2, new Random(1));
    Option a = s.best();
    Option b = s.nearest(new Shares(.36, .28, .36));
    Random random = new Random(12);
    int wins = 0;
    int n = 20_000;
    for (int i = 0; i < n; i++) {
      double[] d = line.draw(random);
      wins += total(d, a) > total(d, b) ? 1 : 0;
    }
    double p = s.chanceLonger(a, b);
    assertThat(wins / (double) n).isCloseTo(p, within(3 * Math.sqrt(.25 / n)));
    assertThat(s.chanceLonger(b, a)).isCloseTo(1 - p, within(1e-9));
    assertThat(s.longer(a, b).p50()).isCloseTo(a.total_m() - b.total_m(), within(1e-9));
  }

  private static double total(double[] d, Option o) {
    List<Double> up = o.takeOffVy();
    return FlightChain.run(new ContactModel.ByGain(d[0], d[1]), 10.2, -.3,
            List.of(new Push(up.get(0), 1.25, 1.05, .75), new Push(up.get(1), 1.2, 1.05, .75), new Push(up.get(2), 1.2, .65, 1)))
        .stream().mapToDouble(FlightChain.Link::length).sum();
  }

  /** With nothing measured the data cannot tell; with much they may; the same seed gives the same answer. */
  @Test
  void saysWhenTheDataCannotTell() {
    JumpProfile profile = workedProfile(.3);
    BestShares none = BestShares.of(ContactLine.learn(List.of(), ContactPrior.JUDGED), profile, 3.9, 2, new Random(1));
    assertThat(none.told()).isFalse();
    assertThat(none.classChance().values().stream().mapToDouble(Double::doubleValue).sum()).isCloseTo(1, within(1e-9));
    BestShares much = BestShares.of(line(60, .1, 1), profile, 3.9, 2, new Random(1));
    assertThat(much.optimum().get(0).halfWidth()).isLessThan(none.optimum().get(0).halfWidth());
    assertThat(much.chanceLonger(much.best(), much.now())).isGreaterThan(.9);
    assertThat(BestShares.of(line(60, .1, 1), profile, 3.9, 2, new Random(1)).classChance()).isEqualTo(much.classChance());
  }

  /**
   * Where the metres are, with a line and a body that are known almost exactly: 0.1 m/s is 0.1 x the flight times (1.6438
   * s, section 2, worked); 5 % of the step's loss of 1.8071 m/s is carried for .4546 + .6273 s: 9.78 cm.
   */
  @Test
  void worthsOfTheWorkedChain() {
    List<WhereMetres.Worth> w = WhereMetres.of(line(3000, .02, 1), sure(), new Random(1));
    assertThat(w).extracting(WhereMetres.Worth::change).containsExactly(WhereMetres.Change.values());
    assertThat(w.get(0).metres().p50()).isCloseTo(.1 * (.5619 + .4546 + .6273), within(1e-4));
    assertThat(w.get(1).metres().p50()).isCloseTo(.05 * 1.8071 * (.4546 + .6273), within(1e-3));
    assertThat(w.get(5).metres()).isEqualTo(new Estimate(.02, .02, .02));
    // one degree on the jump: atan(2.2 / 6.3169) + 1 degree with the loss along the line, solved here by bisection
    double low = 2.2;
    double high = 3;
    for (int i = 0; i < 60; i++) {
      double vy = (low + high) / 2;
      double out = 7.9729 - (-1.2 + .6 * (vy + 2.5599));
      if (Math.atan(vy / out) < Math.atan(2.2 / 6.3169) + Math.PI / 180) {
        low = vy;
      } else {
        high = vy;
      }
    }
    double out = 7.9729 - (-1.2 + .6 * (low + 2.5599));
    double flight = out * (low + Math.sqrt(low * low + 2 * 9.81 * .55)) / 9.81;
    assertThat(w.get(4).metres().p50()).isCloseTo(flight - 3.9625, within(2e-3));
  }

  private static JumpProfile sure() {
    JumpProfile p = workedProfile(.3);
    List<ShownPhase> phases =
        p.phases().stream()
            .map(s -> new ShownPhase(sure(s.takeOffVy()), s.least(), s.most(), sure(s.takeOffHeight_m()), sure(s.touchdownHeight_m()), sure(s.ground_m())))
            .toList();
    return new JumpProfile(sure(p.approach()), p.firstTouchdownVy(), phases, p.shortestStep_m(), p.jumps(), p.together());
  }

  private static Usual sure(Usual u) {
    return new Usual(u.mean(), 0);
  }

  /** Thin data make wide worths; a worth whose interval holds 0 is not told. */
  @Test
  void thinDataMakeWideWorths() {
    List<WhereMetres.Worth> thin = WhereMetres.of(line(3, .2, 5), workedProfile(.3), new Random(1));
    List<WhereMetres.Worth> thick = WhereMetres.of(line(60, .2, 5), workedProfile(.3), new Random(1));
    for (int i = 1; i < 5; i++) {
      assertThat(thin.get(i).metres().halfWidth()).isGreaterThan(thick.get(i).metres().halfWidth());
    }
    assertThat(new WhereMetres.Worth(WhereMetres.Change.STEP_ANGLE, new Estimate(-.1, .1, .2)).told()).isFalse();
  }

  @Test
  void profileFromJumps() {
    List<MeasuredJump> jumps = JumpFixtures.jumps(TRUTH, 10, new Random(6), .1);
    JumpProfile p = JumpProfile.of(jumps);
    assertThat(p.jumps()).isEqualTo(10);
    assertThat(p.phases().get(0).least()).isLessThan(p.phases().get(0).takeOffVy().mean());
    assertThat(p.phases().get(0).most()).isGreaterThan(p.phases().get(0).takeOffVy().mean());
    assertThat(p.shortestStep_m()).isEqualTo(jumps.stream().mapToDouble(j -> j.phases().step_m()).min().orElseThrow());
    assertThatThrownBy(() -> JumpProfile.of(jumps.subList(0, 2))).isInstanceOf(RefusedException.class).hasMessageContaining("at least 3");
  }
}
