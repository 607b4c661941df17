package boundwright.web.squad;

import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;

/** The squad of the day. */
public final class SquadHandler {
  private final Pages pages;
  private final SquadDesk desk;

  public SquadHandler(Workbench bench, Pages pages) {
    this.pages = pages;
    this.desk = new SquadDesk(bench);
  }

  /** Works the front page out once, so that whoever asks for it first need not wait for what it is made with. */
  public static void prepare(Workbench bench) {
    new SquadDesk(bench).of(new SquadView.Asked("", 0, "", false), "");
  }

  /** The front page. */
  public void squad(Context ctx) {
    String group = Form.text(ctx, "group");
    SquadView.Asked asked =
        new SquadView.Asked(
            Form.text(ctx, "q"), group.matches("\\d{1,18}") ? Long.parseLong(group) : 0, Form.text(ctx, "sort"), Form.has(ctx, "down"));
    pages.show(ctx, 200, "squad/squad", "Squad of the day", "squad", desk.of(asked, Form.text(ctx, "drill")));
  }
}
