package boundwright.web.files;

import boundwright.athlete.Athlete;
import boundwright.card.AthleteReports;
import boundwright.card.CardPdf;
import boundwright.card.Paper;
import boundwright.card.SessionCard;
import boundwright.card.SessionCards;
import boundwright.demo.DemoSquad;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.web.page.Addresses;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The card of the day, on the screen and as a PDF. */
public final class CardHandler {
  private final Workbench bench;
  private final Pages pages;
  private final SessionCards cards;
  private final AthleteReports reports;

  public CardHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
    this.cards = new SessionCards(bench.advisor(), bench.loadDesk(), bench.backDesk()::today, bench.clock(), bench.looks()::teaching);
    this.reports =
        new AthleteReports(
            bench.reps(), bench.care(), bench.loadDesk(), bench.ladderDesk(), bench.ladder(), bench.looks(), bench.tests(), bench.clock());
  }

  /** The squad's card. */
  public void squad(Context ctx) {
    page(ctx, here(), "", "card");
  }

  /** One athlete's card. */
  public void athlete(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    page(ctx, List.of(athlete), String.valueOf(athlete.id()), "squad");
  }

  /** The card as a PDF, of the squad or of the athlete asked for. */
  public void pdf(Context ctx) {
    Paper paper = Form.oneOf(ctx, "paper", Paper.class, Paper.A5);
    String number = Form.text(ctx, "athlete");
    List<Athlete> who = number.isEmpty() ? here() : List.of(Addresses.athlete(number, bench));
    SessionCard card = written(ctx, who);
    if (card == null) {
      return;
    }
    String name = number.isEmpty() ? "squad" : Form.fileName(who.get(0).name());
    Pages.pdf(ctx, "card-" + name + "-" + paper.name().toLowerCase(Locale.ROOT), CardPdf.shared().render(card, paper));
  }

  /** An athlete's report as a PDF. */
  public void report(Context ctx) {
    Athlete athlete = Addresses.athlete(ctx, bench);
    Paper paper = Form.oneOf(ctx, "paper", Paper.class, Paper.A4);
    byte[] bytes = CardPdf.shared().renderReport(reports.of(athlete, bench.settings().settings(), bench.invented() ? DemoSquad.NOTE : ""), paper);
    Pages.pdf(ctx, "report-" + Form.fileName(athlete.name()), bytes);
  }

  /** Those who are here; everybody when nobody is, so that a card can be printed before the sweep. */
  private List<Athlete> here() {
    List<Athlete> here = bench.attendance().here();
    return here.isEmpty() ? bench.athletes().all() : here;
  }

  private SessionCard card(List<Athlete> who) {
    return cards.of(who, bench.settings().plan(), bench.settings().settings(), bench.invented() ? DemoSquad.NOTE : "");
  }

  /** The card, or null where it was said that the plan is empty, with the way to it. */
  private @Nullable SessionCard written(Context ctx, List<Athlete> who) {
    try {
      return card(who);
    } catch (RefusedException e) {
      if (who.isEmpty() || !bench.settings().plan().drills().isEmpty()) {
        throw e;
      }
      pages.message(ctx, 422, "Nothing is planned", String.valueOf(e.getMessage()), "/plan", "To the plan");
      return null;
    }
  }

  private void page(Context ctx, List<Athlete> who, String number, String here) {
    SessionCard card = written(ctx, who);
    if (card != null) {
      pages.show(ctx, 200, "files/card", "Card to print", here, new CardView(card, number));
    }
  }
}
