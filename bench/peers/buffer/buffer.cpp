// The reference for parallels: GEOS (C interface, <geos_c.h>) buffers the ring in a file of `x,y`
// lines with one header line, after one round for warmth until the milliseconds given have passed (the
// first round counts when it takes as long by itself), and prints one JSON line: processor seconds of one buffer, area, length and number of its rings.
//
// usage: buffer RING.csv DISTANCE CHORDS_PER_QUARTER MILLISECONDS
#include <geos_c.h>

#include <cstdarg>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <vector>

static void say(const char* format, ...) {
    va_list args;
    va_start(args, format);
    vfprintf(stderr, format, args);
    va_end(args);
    fputc('\n', stderr);
}

static double cpu() {
    timespec t;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &t);
    return t.tv_sec + 1e-9 * t.tv_nsec;
}

static GEOSGeometry* load(const char* name) {
    FILE* f = fopen(name, "r");
    if (!f) return nullptr;
    std::vector<double> xy;
    char head[64];
    double x, y;
    if (fgets(head, sizeof head, f))
        while (fscanf(f, "%lf,%lf", &x, &y) == 2) xy.insert(xy.end(), {x, y});
    fclose(f);
    if (xy.size() < 6) return nullptr;
    xy.insert(xy.end(), {xy[0], xy[1]});
    unsigned n = xy.size() / 2;
    GEOSCoordSequence* s = GEOSCoordSeq_create(n, 2);
    for (unsigned i = 0; i < n; i++) GEOSCoordSeq_setXY(s, i, xy[2 * i], xy[2 * i + 1]);
    return GEOSGeom_createPolygon(GEOSGeom_createLinearRing(s), nullptr, 0);
}

static int rings(const GEOSGeometry* g) {
    int count = 0;
    for (int i = 0; i < GEOSGetNumGeometries(g); i++) {
        const GEOSGeometry* part = GEOSGetGeometryN(g, i);
        if (!GEOSisEmpty(part)) count += 1 + GEOSGetNumInteriorRings(part);
    }
    return count;
}

int main(int argc, char** argv) {
    if (argc != 5) {
        fprintf(stderr, "usage: buffer RING.csv DISTANCE CHORDS_PER_QUARTER MILLISECONDS\n");
        return 2;
    }
    initGEOS(say, say);
    GEOSGeometry* ring = load(argv[1]);
    if (!ring) {
        fprintf(stderr, "buffer: %s holds no ring\n", argv[1]);
        return 1;
    }
    double d = atof(argv[2]), most = 1e-3 * atof(argv[4]), area = 0, length = 0, took = 0;
    int quarter = atoi(argv[3]), count = 0, rounds = 0;
    double began = cpu();
    do {
        GEOSGeometry* out = GEOSBuffer(ring, d, quarter);
        if (!out) return 1;
        took = cpu() - began;
        rounds++;
        if (count == 0 && rounds == 1) {
            GEOSArea(out, &area);
            GEOSLength(out, &length);
            count = rings(out);
            if (took < most) rounds = 0, began = cpu(), took = 0;  // the first was for warmth
        }
        GEOSGeom_destroy(out);
    } while (took < most);
    printf("{\"t\":%.9f,\"area\":%.12g,\"length\":%.12g,\"rings\":%d}\n", took / rounds, area, length, count);
    GEOSGeom_destroy(ring);
    finishGEOS();
}
