package boundwright.web.season.input;

import boundwright.load.LegCare.MedicalHold;
import boundwright.quantity.Notes;
import boundwright.quantity.RefusedException;
import boundwright.season.Meet;
import boundwright.season.Member;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonRepository.Kept;
import boundwright.season.desk.SeasonDesk;
import boundwright.store.Workbench;
import boundwright.store.season.MisreadException;
import boundwright.store.season.SeasonDraft;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.Turned;
import boundwright.web.season.input.PieceView.Pick;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The forms of the pieces of a season. What was written and cannot be taken stands in the form again, the sentence beside its field. */
final class PieceHandler {
  private static final List<Piece> PIECES = List.of(new FramePiece(), new MeetPiece(), new PlacePiece(), new AthletePiece(), new RulesPiece());
  private static final Set<String> NOT_OF_THE_PIECE = Set.of("csrf", "season", "at", "edition", "action");
  private static final int MOST_FIELDS = 2000;

  private final Workbench bench;
  private final Pages pages;
  private final SeasonDesk desk;

  PieceHandler(Workbench bench, Pages pages, SeasonDesk desk) {
    this.bench = bench;
    this.pages = pages;
    this.desk = desk;
  }

  /** The form. */
  void show(Context ctx, Kept kept) {
    Piece piece = asked(ctx);
    SeasonDraft draft = draft(kept);
    String at = at(ctx, piece, draft);
    show(ctx, 200, kept, piece, at, piece.fields(draft, at), null, "");
  }

  /** Keeps what was written, or takes the piece out. */
  void save(Context ctx, Kept kept) {
    Piece piece = asked(ctx);
    SeasonDraft draft = draft(kept);
    String at = at(ctx, piece, draft);
    ObjectNode typed = FieldTree.tree(typed(ctx));
    boolean remove = Form.text(ctx, "action").equals("remove");
    Map<String, String> again = remove ? piece.fields(draft, at) : FieldTree.fields(typed);
    String under = "";
    try {
      unchangedMeanwhile(ctx, kept, piece, draft, at);
      if (remove) {
        piece.remove(draft, at);
      } else {
        under = piece.put(draft, at, typed);
      }
      SeasonInput next = draft.read(bench.care().guard());
      desk.change(kept.id(), now -> next);
      ctx.redirect("/season/input?season=" + kept.id() + "&done=" + (remove ? "removed" : "kept"), HttpStatus.SEE_OTHER);
    } catch (MisreadException e) {
      String path = e.path().startsWith(under) ? e.path().substring(under.length()) : e.path().equals(under.replaceAll("\\.$", "")) ? piece.beside() : "";
      String field = piece.shown().matcher(path).matches() ? path : "";
      show(ctx, 422, kept, piece, at, again, field, sentence(e.sentence()));
    } catch (RefusedException e) {
      show(ctx, 422, kept, piece, at, again, remove ? "" : piece.beside(), String.valueOf(e.getMessage()));
    }
  }

  private static String sentence(String said) {
    return said.startsWith("is missing") ? "This " + said : Notes.capital(said);
  }

  /** Refuses over what somebody else changed in the same piece since the form was shown; what was written stays, and a second time it holds. */
  private void unchangedMeanwhile(Context ctx, Kept kept, Piece piece, SeasonDraft draft, String at) {
    int shown = Form.whole("edition", Form.text(ctx, "edition"));
    if (shown == kept.edition()) {
      return;
    }
    Map<String, String> then = bench.seasons().input(kept.id(), shown).map(in -> piece.fields(new SeasonDraft(in, bench.care().guard()), at)).orElse(Map.of());
    if (!then.equals(piece.fields(draft, at))) {
      throw new RefusedException("This was changed meanwhile, in another tab or by somebody else. Look at it there; keep yours again if it shall hold.");
    }
  }

  private SeasonDraft draft(Kept kept) {
    return new SeasonDraft(desk.input(kept.id()), bench.care().guard());
  }

  private static Piece asked(Context ctx) {
    String name = ctx.pathParam("piece");
    return PIECES.stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow(() -> new Turned(404, "A season has no '" + name + "'. Choose what to change on its page."));
  }

  private static String at(Context ctx, Piece piece, SeasonDraft draft) {
    String at = Form.text(ctx, "at");
    if (!at.isEmpty() && piece.fields(draft, at).isEmpty()) {
      throw new Turned(404, "That is not in the season any more. Choose what to change on its page.");
    }
    return at;
  }

  private static Map<String, String> typed(Context ctx) {
    if (ctx.formParamMap().size() > MOST_FIELDS) {
      throw new Turned(413, "The form has more fields than a season has.");
    }
    Map<String, String> out = new LinkedHashMap<>();
    ctx.formParamMap().forEach((name, values) -> {
      if (!NOT_OF_THE_PIECE.contains(name) && !values.isEmpty()) {
        out.put(name, values.get(0));
      }
    });
    return out;
  }

  private void show(Context ctx, int status, Kept kept, Piece piece, String at, Map<String, String> fields, @Nullable String wrong, String sentence) {
    SeasonInput input = desk.input(kept.id());
    String title = piece.title(new SeasonDraft(input, bench.care().guard()), at);
    pages.show(
        ctx, status, "season/input/" + piece.name(), title, "season",
        new PieceView(kept.id(), kept.name(), piece.name(), title, at, kept.edition(), fields, wrong, sentence, picks(piece, input), notes(piece, input, at)));
  }

  private static List<Pick> picks(Piece piece, SeasonInput input) {
    return switch (piece.name()) {
      case "meet" -> input.squad().stream().map(m -> new Pick(String.valueOf(m.id()), m.name())).toList();
      case "athlete" -> input.meets().stream().map(m -> new Pick(m.key(), said(m))).toList();
      default -> List.of();
    };
  }

  private static String said(Meet m) {
    return m.name() + ", " + InputHandler.DAY.format(m.date());
  }

  private List<String> notes(Piece piece, SeasonInput input, String at) {
    if (!piece.name().equals("athlete")) {
      return List.of();
    }
    Member m = input.squad().stream().filter(x -> String.valueOf(x.id()).equals(at)).findFirst().orElseThrow(() -> new Turned(404, "That athlete is not in the season."));
    List<String> out = new ArrayList<>();
    LocalDate today = desk.today();
    for (MedicalHold h : bench.care().care(m.id(), today).holds()) {
      if (h.holds(today)) {
        out.add("On medical hold since " + InputHandler.DAY.format(h.from()) + ", as entered under Watch. It counts wherever a plan is made or published.");
      }
    }
    int days = m.past().days().size();
    out.add(days == 0 ? "No load before the season is known from the log." : "Load before the season: " + Notes.counted(days, "day") + " of the log.");
    return out;
  }
}
