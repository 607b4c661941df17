/**
 * A day at the runway as a phone carries it: what the server hands out in the morning ({@link boundwright.phone.Parcel}), what was tapped
 * since ({@link boundwright.phone.Entry}), and from both the mark of every athlete and drill. This room answers: what stands on the
 * phone's screen now? It runs twice, on the server for the first paint and in the browser, compiled from these same lines; it knows no
 * page, no network and no store.
 */
@NullMarked
package boundwright.phone;

import org.jspecify.annotations.NullMarked;
