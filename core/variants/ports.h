#pragma once
// What a variant does to a base, as ports: places where a current is driven or an equation is otherwise, and the few unknowns that
// answer. The untouched rest stands behind them as responses (base_system.h).
//
// Unknowns: the drive of each port (A between two points; of an opened or limited stiff branch V in its equation), and the lift of
// each part that hangs together and that the variant touches, other than the reference's: all its nodes rise together, and the
// drives into it add up to nothing. Metal that the base doesn't have is a part of one point. Where a piece would float once its
// last branch is gone, that branch stays: nothing flows in it, and the piece has a voltage to be solved for. Curves among the ports
// are followed by Newton's method with their own limiting; the rest of the equations is linear.
// Thread rule: one thread at a time; pointers to responses are good until the base forgets them.

#include "core/variants/base_system.h"

#include <vector>

namespace tiepoint {

/// A place of the variant: a node of the base, or (node -1) metal that the base doesn't have.
struct MetalPoint {
    int node = -1;
    int part = -1;  ///< component of the base, or beyond those one for each new metal
    friend bool operator==(const MetalPoint&, const MetalPoint&) = default;
};

enum class PortRule {
    Join,    ///< the two points are one: drive is the current from the first to the
             ///< second
    Hold,    ///< v(a) - v(b) - ohm i = emf; i the drive, or the current of a stiff
             ///< branch of the base that was limited
    Fix,     ///< the current is `fixedAmpere`; of the drive, or of the base's stiff
             ///< branch
    Tangent  ///< drive = what a tangent says, less what one of the base says there
};

struct Port {
    PortRule rule = PortRule::Join;
    MetalPoint a, b;
    int stiff = -1;  ///< the base's branch whose equation this changes; -1: a
                     ///< drive between the points
    double emfVolt = 0, ohm = 0, fixedAmpere = 0, limitAmpere = 0;
    Curve::Tangent now, before;    ///< Tangent: of the variant, and of the base
    const Curve* curve = nullptr;  ///< whose tangent `now` is; null: a straight line
    double touch = 0;
    int element = -1;             ///< of the variant's own circuit; -1
    int soft = -1, ofCurve = -1;  ///< the base's branch between the points, if the
                                  ///< drive is beside it
    bool goes = false;            ///< takes a branch of the base away
    bool stays = false;           ///< found: without that branch a piece would float;
                                  ///< nothing flows there, so it stays
    int baseCurve = -1;           ///< the curve of the base that this replaces or joins; -1
};

class PortSystem {
public:
    explicit PortSystem(BaseSystem& base) : base_(base) {}

    void clear();
    int add(const Port& port);
    Port& port(int index) { return ports_[index]; }
    const std::vector<Port>& ports() const { return ports_; }
    /// In place of the base's own rest: what it rests at with small currents added (by unknown); empty: the base's own.
    void setRest(const std::vector<double>* rest) { rest_ = rest; }

    /// Finds the drives. False: no solution, or none that rounding leaves alone.
    bool solve();

    double drive(int port) const { return unknown_[port]; }
    double volt(const MetalPoint& point) const;
    double stiffAmpere(int stiff) const;
    /// Between the points of a port.
    double across(int port) const { return volt(ports_[port].a) - volt(ports_[port].b); }
    /// By how much the voltage across each curve of the base is another: filled.
    void addAcross(std::vector<double>& across) const;
    bool isTied(int part) const;  ///< to the reference's
    bool anyStays() const { return anyStays_; }

private:
    void findLifts();
    void findShares();
    bool isFixedDrive(const Port& p) const { return p.rule == PortRule::Fix && p.stiff < 0; }
    void fillRows();
    bool eliminate();
    /// Lets a branch stay that holds what would float; `column`: where elimination found no pivot.
    bool keepOne(int column);
    bool staysAreIdle() const;
    bool moveCurves();
    double restOf(int unknown) const { return rest_ ? (*rest_)[unknown] : base_.rest()[unknown]; }
    double responseOf(int port, int unknown) const;
    int liftOf(int part) const;

    BaseSystem& base_;
    std::vector<Port> ports_;
    const std::vector<double>* rest_ = nullptr;
    struct Source {
        const BaseSystem::Response *plus = nullptr, *minus = nullptr;
    };
    std::vector<Source> sources_;  ///< by port: what answers its drive
    struct Lift {
        int part;
        bool fixed, tied;
    };
    std::vector<Lift> lifts_;
    std::vector<int> groups_;
    std::vector<double> volts_, currents_;  ///< by port and port: how drives move
                                            ///< voltages and stiff currents
    std::vector<double> matrix_, right_, unknown_;
    int count_ = 0, failedColumn_ = -1;
    bool anyStays_ = false;
};

}  // namespace tiepoint
