package leeway.e2e;

import java.util.List;

/** Every page of the site, by the name of its picture. */
record Pages(String name, String path) {
    static final List<Pages> ALL = List.of(
            new Pages("journey", "/"),
            new Pages("journey-new", "/new"),
            new Pages("map", "/map"),
            new Pages("gases", "/gases"),
            new Pages("rehearse", "/rehearse"),
            new Pages("fault", "/rehearse/fault?fault=disconnection%20at%20the%20patient"),
            new Pages("compare", "/compare"),
            new Pages("figures", "/figures"),
            new Pages("figure", "/figures/cylinder"),
            new Pages("checks", "/checks"),
            new Pages("sheets", "/sheets"),
            new Pages("sheet", "/sheets/ventilator/example%20pneumatic"),
            new Pages("api", "/api"),
            new Pages("error", "/no-such-page"));
}
