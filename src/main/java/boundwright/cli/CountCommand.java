package boundwright.cli;

import boundwright.footfall.Flight;
import boundwright.footfall.FlightKind;
import boundwright.footfall.Foot;
import boundwright.footfall.LegBalance.Proposal;
import boundwright.footfall.LegBalance.ProposedSet;
import boundwright.footfall.LegBalance;
import boundwright.footfall.Sequence;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import java.io.PrintWriter;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Counts a sequence and keeps the legs level over its sets; needs no data folder. */
@Command(
    name = "count",
    description = {
      "Contacts on each leg, kinds of flight, sets, and which sets to mirror so that the legs share the load.",
      "Needs no data folder. Example: boundwright count \"RRL x3\" --sets 4%n"
    })
final class CountCommand implements Callable<Integer> {
  private static final int MOST_SETS = 200;

  private final BoundwrightCommand top;

  @Parameters(paramLabel = "FEET", description = "The contacts in order: R, L, xN repeats.")
  private String sequence = "";

  @Option(names = "--sets", paramLabel = "N", description = "Times the sequence is done, 1 to 200. Default: 2.")
  private int sets = 2;

  @Option(names = "--cut", paramLabel = "N", description = "Contacts after which a set is cut, 1 to 60. Default: 10.")
  private int cut = Sequence.SET_CONTACTS;

  CountCommand(BoundwrightCommand top) {
    this.top = top;
  }

  @Override
  public Integer call() {
    Sequence feet = Sequence.parse(sequence);
    if (sets < 1 || sets > MOST_SETS) {
      throw new RefusedException(sets + " sets are out of range: 1 to " + MOST_SETS + ". Count a part of the session.");
    }
    List<Sequence> once = feet.sets(cut);
    List<Sequence> all = Collections.nCopies(sets, once).stream().flatMap(List::stream).toList();
    if (all.size() > MOST_SETS) {
      throw new RefusedException(
          "Cut at " + cut + " contacts this makes " + all.size() + " sets; the limit is " + MOST_SETS
              + ". Cut later, or count a part of the session.");
    }
    Answer answer = Answer.of(feet, once, LegBalance.propose(all));
    if (top.json()) {
      Json.print(top.surroundings().out(), answer);
    } else {
      print(top.surroundings().out(), answer);
    }
    return 0;
  }

  /** What {@code count --json} prints; field by field in {@code docs/formats-json.md}. */
  record Answer(
      String sequence, String letters, int size, Legs contacts, Kinds flights, List<String> sets, ProposalAnswer proposal) {
    /** Contacts on each leg. */
    record Legs(int left, int right) {}

    /** How many flights of each kind. */
    record Kinds(long hop, long bound, long jump) {}

    /** One set as proposed. */
    record SetAnswer(String sequence, boolean mirrored, Legs contacts) {}

    /** The session as proposed. */
    record ProposalAnswer(List<SetAnswer> sets, Legs contacts, int apart) {}

    static Answer of(Sequence feet, List<Sequence> once, Proposal proposal) {
      return new Answer(
          feet.text(),
          feet.letters(),
          feet.size(),
          legs(feet),
          new Kinds(count(feet, FlightKind.HOP), count(feet, FlightKind.BOUND), count(feet, FlightKind.JUMP)),
          once.stream().map(Sequence::text).toList(),
          new ProposalAnswer(
              proposal.sets().stream().map(Answer::set).toList(),
              new Legs(proposal.left(), proposal.right()),
              proposal.apart()));
    }

    private static SetAnswer set(ProposedSet set) {
      return new SetAnswer(set.sequence().text(), set.mirrored(), legs(set.sequence()));
    }

    private static Legs legs(Sequence s) {
      return new Legs(s.count(Foot.LEFT), s.count(Foot.RIGHT));
    }

    private static long count(Sequence s, FlightKind kind) {
      return s.flights().stream().map(Flight::kind).filter(k -> k == kind).count();
    }
  }

  private static void print(PrintWriter out, Answer a) {
    out.println(
        Notes.counted(a.size(), "contact") + ": " + a.contacts().right() + " right, " + a.contacts().left() + " left   (" + a.sequence() + ")");
    out.println(
        "Flights: " + Notes.counted(a.flights().hop(), "hop") + ", " + Notes.counted(a.flights().bound(), "bound") + ", "
            + Notes.counted(a.flights().jump(), "jump"));
    if (a.sets().size() > 1) {
      out.println("Cut into sets: " + String.join(" | ", a.sets()));
    }
    out.println();
    out.println("So that the legs share the load:");
    int number = 1;
    for (Answer.SetAnswer set : a.proposal().sets()) {
      out.println("  " + number++ + ".  " + set.sequence() + (set.mirrored() ? "   mirrored" : ""));
    }
    out.println(
        "Together " + a.proposal().contacts().right() + " right, " + a.proposal().contacts().left() + " left"
            + (a.proposal().apart() == 0
                ? ": level."
                : ": " + a.proposal().apart() + " apart, the least that mirroring whole sets can reach."));
  }
}
