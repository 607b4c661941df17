package boundwright.web;

import boundwright.account.Club;
import boundwright.store.Workbench;
import boundwright.store.club.Clubs;
import boundwright.store.view.Seen;
import boundwright.web.door.Caller;
import io.javalin.Javalin;
import jakarta.servlet.DispatcherType;
import jakarta.servlet.FilterChain;
import jakarta.servlet.Servlet;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.eclipse.jetty.ee10.servlet.FilterHolder;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;

/**
 * The houses of a server: one for each club and each way of seeing it, opened when somebody comes who belongs there. Who asks decides
 * which one answers, before any route is looked at.
 */
final class Houses implements AutoCloseable {
  /** Houses of single athletes that stay open; the one longest not asked for closes first. */
  private static final int MOST = 64;

  private final House.Common common;
  private final House first;
  private final Clubs clubs;
  private final Map<Key, Open> open = new LinkedHashMap<>(16, 0.75f, true);

  private record Key(long club, Seen seen) {}

  private record Open(House house, Servlet servlet) {}

  /** @param clubs closed with these */
  Houses(House.Common common, Clubs clubs) {
    this.common = common;
    this.first = new House(common, common.first());
    this.clubs = clubs;
  }

  /** The house of the first club, for those who see everything. */
  House first() {
    return first;
  }

  /** Stands before the first house and sends elsewhere whoever belongs elsewhere. */
  void standBefore(ServletContextHandler handler) {
    FilterHolder holder = new FilterHolder(this::sort);
    holder.setAsyncSupported(true);
    handler.addFilter(holder, "/*", EnumSet.of(DispatcherType.REQUEST));
  }

  private void sort(ServletRequest request, ServletResponse response, FilterChain onward) throws IOException, ServletException {
    Caller caller = common.callers().of((HttpServletRequest) request);
    if (caller.stranger() || (caller.club() == Club.FIRST && caller.seen().equals(Seen.ALL))) {
      onward.doFilter(request, response);
    } else {
      of(new Key(caller.club(), caller.seen())).service(request, response);
    }
  }

  private synchronized Servlet of(Key key) {
    Open known = open.get(key);
    if (known == null) {
      Workbench bench = clubs.of(key.club());
      House house = new House(common, key.seen().equals(Seen.ALL) ? bench : bench.seen(key.seen()));
      known = new Open(house, Javalin.create(house::configure).javalinServlet());
      open.put(key, known);
      closeOldest();
    }
    return known.servlet();
  }

  /** Never a club's own: a season may be planned in it. */
  private void closeOldest() {
    List<Key> single = open.keySet().stream().filter(k -> k.seen().only() != null).toList();
    if (single.size() > MOST) {
      Objects.requireNonNull(open.remove(single.get(0))).house().close();
    }
  }

  @Override
  public synchronized void close() {
    first.close();
    open.values().forEach(o -> o.house().close());
    open.clear();
    clubs.close();
  }
}
