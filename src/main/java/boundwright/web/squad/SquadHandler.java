package boundwright.web.squad;

import boundwright.store.Workbench;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import io.javalin.http.Context;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** The squad of the day. */
public final class SquadHandler {
  private final Pages pages;
  private final Supplier<SquadDesk> desk;

  /** @param begun the front page of this store if it is being worked out already */
  public SquadHandler(Workbench bench, Pages pages, @Nullable FirstPage begun) {
    this.pages = pages;
    SquadDesk own = new SquadDesk(bench);
    this.desk = begun == null ? () -> own : begun::desk;
  }

  /** The front page. */
  public void squad(Context ctx) {
    String group = Form.text(ctx, "group");
    SquadView.Asked asked =
        new SquadView.Asked(
            Form.text(ctx, "q"), group.matches("\\d{1,18}") ? Long.parseLong(group) : 0, Form.text(ctx, "sort"), Form.has(ctx, "down"));
    pages.show(ctx, 200, "squad/squad", "Squad of the day", "squad", desk.get().of(asked, Form.text(ctx, "drill")));
  }
}
