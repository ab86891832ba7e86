#pragma once
// Routing between two layers: level tracks for the nets that don't run straight through, in a channel of ports on both its edges.

#include <vector>

namespace tiepoint {

/// What of a net is joined inside one channel.
struct ChannelRun {
    int net = -1;
    std::vector<double> before, after;  ///< where it meets the channel's edges, across
};

/// A piece of a run on one track.
struct ChannelBar {
    int run = 0;
    int track = 0;  ///< from 0, in the direction of current
    double low = 0, high = 0;
    std::vector<double> before, after;  ///< which of the run's ends it reaches
    std::vector<double> links;          ///< where it meets other bars of the same run
};

struct RoutedChannel {
    std::vector<ChannelBar> bars;  ///< runs without one go straight through
    int tracks = 0;
};

/// `freeAcross` is a place across beyond which no other wire stands; links that no track order can do without are put there.
RoutedChannel routeChannel(const std::vector<ChannelRun>& runs, double freeAcross);

}  // namespace tiepoint
