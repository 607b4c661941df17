package boundwright.clip.session;
final class Trace { static boolean on = Boolean.getBoolean("cut.trace");
 static void passage(Runner r, @org.jspecify.annotations.Nullable Passage p){ if(on) System.out.printf("trace %.2f..%.2f n=%d size=%.0f %s%n", r.looks().get(0).time_s(), r.last().time_s(), r.looks().size(), r.middleSize(), p==null?"no run":p.toString()); } }
